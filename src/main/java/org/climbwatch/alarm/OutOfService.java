package org.climbwatch.alarm;

/** What looks in place of a rule that the settings have switched off. */
record OutOfService(AlarmKind kind, Delays delays) implements Rule {
  @Override
  public boolean inService() {
    return false;
  }

  @Override
  public Verdict look(Situation situation, boolean standing) {
    return Verdict.NOT_APPLICABLE;
  }

  @Override
  public String message(Situation situation, long heldSeconds) {
    return kind.title() + " is switched off in the settings.";
  }
}
