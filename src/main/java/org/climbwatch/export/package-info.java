/** A firing's record as files: CSV (RFC 4180) and JSON (RFC 8259). */
package org.climbwatch.export;
