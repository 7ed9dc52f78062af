/**
 * The input journal: every input of a firing in the order in which it came, and every event as it
 * was announced, in one SQLite file.
 *
 * <pre>
 *   engine thread -> Journal -> Writer -> climbwatch.db (WAL) -> Firings -> page, CSV, report
 *                       ^                      |
 *                       +------- replay -------+   after a restart
 * </pre>
 *
 * <p>All inputs share one sequence without holes: the {@code id} of a reading and of a deed. A
 * firing is a range of it. May use the core and SQLite.
 */
package org.climbwatch.journal;
