package org.climbwatch.app;

/** The command or its input is wrong and the person can put it right: exit 2. */
final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1;

  Refusal(String whatWhereWhatToDo) {
    super(whatWhereWhatToDo);
  }
}
