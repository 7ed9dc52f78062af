/** A firing's record as files: CSV (RFC 4180) and JSON. */
package org.climbwatch.export;
