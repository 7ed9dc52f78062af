/** The command line, the configuration, and the wiring of core and edges into a daemon. */
package org.climbwatch.app;
