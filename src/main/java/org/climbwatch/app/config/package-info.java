/** The configuration: one TOML file, checked as a whole before anything is opened. */
package org.climbwatch.app.config;
