/**
 * A thermocouple amplifier on an SPI bus of a Raspberry Pi.
 *
 * <pre>
 *  /dev/spidevB.C --4 bytes--> LinuxSpiLink --4 bytes--> Max31855 --reading--> sampler
 *                              (Pi4J, moves bytes)       (the data sheet)
 *                              `---------- SpiSource: keeps the link open ----------'
 * </pre>
 *
 * <p>May use {@code reading}, {@code thermocouple}, {@code source} and Pi4J.
 */
package org.climbwatch.source.spi;
