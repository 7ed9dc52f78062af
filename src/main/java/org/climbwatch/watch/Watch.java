package org.climbwatch.watch;

import java.util.List;
import java.util.Optional;
import org.climbwatch.firing.Phase;

/** The state machine of one kiln. One thread owns it. */
public final class Watch {
  private final WatchSettings settings;

  public Watch(WatchSettings settings) {
    this.settings = settings;
  }

  /** Takes one input and says what follows from it. */
  public Outcome accept(Input input) {
    return new Outcome(true, Optional.empty(), List.of());
  }

  /** What is true now. */
  public View view() {
    return new View(settings.kiln(), Phase.IDLE, Optional.empty(), Optional.empty(), List.of());
  }
}
