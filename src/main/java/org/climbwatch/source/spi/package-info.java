/**
 * A thermocouple amplifier on an SPI bus of a Raspberry Pi.
 *
 * <pre>
 *  /dev/spidevB.C &lt;--bytes--&gt; LinuxSpiLink &lt;--bytes--&gt; SpiSource --reading--&gt; sampler
 *                             (Pi4J, moves bytes)     |  keeps the link open and the chip set up
 *                                                     |
 *                              Chip, Chip.Talk: what to send, what the answers mean (pure)
 *                              Max31855  Max31856  Max6675  Ads1118: one data sheet each
 * </pre>
 *
 * <p>May use {@code reading}, {@code thermocouple}, {@code source} and Pi4J.
 */
package org.climbwatch.source.spi;
