/**
 * A transmitter that speaks Modbus RTU, alone on its line or with others.
 *
 * <pre>
 *   SharedPort --turn--> UnitTalker --asks--> RtuExchange --frames--> Wire
 *                            |                    |
 *                     Register (numbers)     ReplyScanner (whole frames out of any bytes)
 * </pre>
 *
 * <p>The protocol's own parts (request and answer units, check sum, exception codes) are those of
 * the library {@code com.digitalpetri.modbus:modbus}, whose classes are loaded with the first
 * question. Its serial transport is left out: it knows nothing of stable names, takes the answer of
 * any unit and any age for the one waited for, and is not in step again after noise in front of a
 * frame.
 *
 * <p>May use {@code reading}, {@code source}, {@code source.port} and that library.
 */
package org.climbwatch.source.modbus;
