package org.climbwatch.app.config;

import java.util.List;

/** A configuration that cannot be used; the message holds all mistakes, one a line. */
public final class ConfigurationProblem extends RuntimeException {
  private static final long serialVersionUID = 1;

  ConfigurationProblem(List<String> mistakes) {
    super(String.join("\n", mistakes));
  }
}
