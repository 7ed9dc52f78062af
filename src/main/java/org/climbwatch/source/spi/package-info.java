/** Amplifiers on the SPI bus: a link that moves bytes, and one codec for each chip. */
package org.climbwatch.source.spi;
