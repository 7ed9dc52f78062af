/**
 * Serial ports, for every kind of source that talks over one: opening by a stable name, losing and
 * finding again, and taking turns on a line that several probes share.
 *
 * <pre>
 *   SharedPorts --one for each port--> SharedPort --turns--> Talker (a probe's questions)
 *                                          |                    |
 *                                      PortKeeper            AnswerLedger --> PolledSource --> sampler
 *                                          |
 *                                      PortLink (jSerialComm)
 * </pre>
 *
 * <p>May use {@code reading}, {@code source} and jSerialComm.
 */
package org.climbwatch.source.port;
