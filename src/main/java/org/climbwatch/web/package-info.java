/**
 * The HTTP edge: JSON, the status page, the live stream, metrics and health.
 *
 * <pre>
 *   browser, script -> Guard -> Routes -> Backend (what the app implements)
 *                                 |
 *   Backend.listen -> LiveHub -> one LiveClient for each open stream
 * </pre>
 *
 * <p>Uses the core and Javalin (with the Jetty and the Jackson core inside it); knows nothing of
 * the journal. Every error leaves as an RFC 9457 problem document.
 */
package org.climbwatch.web;
