/**
 * Trying settings on the past: recorded firings run through the core once more, and what differs.
 */
package org.climbwatch.app.trial;
