/**
 * The alarm rules and the life cycle of an alarm, in the words of ANSI/ISA-18.2 and IEC 62682.
 *
 * <p>A rule is a pure look at the {@link org.climbwatch.alarm.Situation}; delays, acknowledgement
 * and return to normal belong to the alarm. Uses {@code reading} and values of {@code signal} and
 * {@code firing}.
 */
package org.climbwatch.alarm;
