package org.climbwatch.alarm;

import static org.climbwatch.alarm.AlarmState.ACKNOWLEDGED;
import static org.climbwatch.alarm.AlarmState.LATCHED;
import static org.climbwatch.alarm.AlarmState.NORMAL;
import static org.climbwatch.alarm.AlarmState.OUT_OF_SERVICE;
import static org.climbwatch.alarm.AlarmState.RETURNED_UNACKNOWLEDGED;
import static org.climbwatch.alarm.AlarmState.SHELVED;
import static org.climbwatch.alarm.AlarmState.SUPPRESSED_BY_DESIGN;
import static org.climbwatch.alarm.AlarmState.UNACKNOWLEDGED;

import java.util.EnumMap;
import java.util.Map;

/**
 * Which state follows on which, for every pair of state and turn.
 *
 * <p>The states are those of ANSI/ISA-18.2 and IEC 62682. {@code docs/alarms.md} has the same table
 * in words; a test holds the two together.
 */
final class LifeCycle {
  private static final AlarmState N = NORMAL;
  private static final AlarmState U = UNACKNOWLEDGED;
  private static final AlarmState A = ACKNOWLEDGED;
  private static final AlarmState R = RETURNED_UNACKNOWLEDGED;

  /** Only where the alarm latches; {@link #N} otherwise. */
  private static final AlarmState L = LATCHED;

  private static final AlarmState S = SHELVED;
  private static final AlarmState P = SUPPRESSED_BY_DESIGN;
  private static final AlarmState O = OUT_OF_SERVICE;

  private static final Map<AlarmState, AlarmState[]> NEXT = new EnumMap<>(AlarmState.class);

  static {
    // turn:  holds, gone, suppressed, taken over, taken out, applies, acknowledged, shelved,
    //        unshelved holding, unshelved gone, reset, anew
    row(N, /**/ U, N, P, P, O, N, N, S, N, N, N, N);
    row(U, /**/ U, R, R, P, R, U, A, S, U, U, U, U);
    row(A, /**/ A, L, P, P, O, A, A, S, A, A, A, U);
    row(R, /**/ U, R, R, R, R, R, L, S, R, R, R, R);
    row(L, /**/ U, L, P, L, O, L, L, S, L, L, N, L);
    row(S, /**/ S, S, S, S, S, S, S, S, U, L, S, S);
    row(P, /**/ P, P, P, P, O, N, P, S, P, P, P, P);
    row(O, /**/ O, O, P, O, O, N, O, O, O, O, O, O);
  }

  private LifeCycle() {}

  private static void row(AlarmState from, AlarmState... next) {
    NEXT.put(from, next);
  }

  /**
   * The state that follows.
   *
   * @param latches whether the alarm, once raised, stays until it is reset
   */
  static AlarmState next(AlarmState from, Turn turn, boolean latches) {
    AlarmState next = NEXT.get(from)[turn.ordinal()];
    return next == LATCHED && from != LATCHED && !latches ? NORMAL : next;
  }
}
