package org.climbwatch.app;

import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote into the jar. */
public final class Version implements IVersionProvider {
  @Override
  public String[] getVersion() {
    String version = Version.class.getPackage().getImplementationVersion();
    return new String[] {"climbwatch " + (version == null ? "(not packaged)" : version)};
  }
}
