/**
 * A thermocouple amplifier behind a serial line: any microcontroller that prints one text line a
 * look. The format is told in {@code hardware-notes/text-line.md}.
 *
 * <pre>
 *  port --bytes--> SerialLink --bytes--> LineAssembler --line--> TextLine --signal--> LineLedger
 *                  (jSerialComm)         (where lines end)       (the format)         (how it is doing)
 *                  `------------ SerialReader, a thread of its own ------------'          |
 *                                                        sampler <--reading-- SerialSource
 * </pre>
 *
 * <p>May use {@code reading}, {@code source} and jSerialComm.
 */
package org.climbwatch.source.serial;
