/** The kiln model: a small propane top-hat fibre kiln by its heat balance, for demo and tests. */
package org.climbwatch.source.simulated;
