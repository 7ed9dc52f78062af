/**
 * An instrument that speaks SCPI on a serial line: a bench meter or a scanner that gives a voltage
 * or a temperature.
 *
 * <pre>
 *   SharedPort --turn--> ScpiTalker --asks--> Dialogue --lines--> Wire
 *                            |
 *                  NumericAnswer, ErrorEntry (what a line says)
 * </pre>
 *
 * <p>After SCPI-1999 (Standard Commands for Programmable Instruments) and IEEE 488.2-1992. May use
 * {@code reading}, {@code source} and {@code source.port}.
 */
package org.climbwatch.source.scpi;
