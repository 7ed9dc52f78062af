/**
 * A thermocouple amplifier behind a serial line: any microcontroller that prints one text line a
 * look. The format is told in {@code hardware-notes/text-line.md}.
 *
 * <pre>
 *  port --bytes--> PortLink ---bytes--> LineAssembler --line--> TextLine --signal--> LineLedger
 *                  (jSerialComm)         (where lines end)       (the format)         (how it is doing)
 *                  `----- SerialReader, on a PortKeeper's own thread ----------'          |
 *                                                        sampler <--reading-- SerialSource
 * </pre>
 *
 * <p>May use {@code reading}, {@code source} and {@code source.port}.
 */
package org.climbwatch.source.serial;
