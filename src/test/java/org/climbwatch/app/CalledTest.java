package org.climbwatch.app;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CalledTest {
  @ParameterizedTest
  @CsvSource({
    "target/climbwatch.jar, java -jar target/climbwatch.jar",
    "/opt/climbwatch/climbwatch.jar, java -jar /opt/climbwatch/climbwatch.jar",
    "climbwatch-0.1.0.jar, java -jar climbwatch-0.1.0.jar",
    "target/classes:lib/a.jar, java -jar climbwatch.jar",
    "my kiln/climbwatch.jar, java -jar climbwatch.jar",
    "100%s/climbwatch.jar, java -jar climbwatch.jar",
    "'', java -jar climbwatch.jar"
  })
  void namesTheJarAsItWasCalled(String classPath, String name) {
    assertThat(Called.name(classPath)).isEqualTo(name);
  }

  @Test
  void anExampleThatIsTooLongGoesOnAsAShellReadsIt() {
    assertThat(
            Called.example(
                "  climbwatch replay --firings all --data /var/lib/climbwatch --config trial.toml",
                "java -jar target/climbwatch.jar"))
        .containsExactly(
            "  java -jar target/climbwatch.jar replay --firings all \\",
            "     --data /var/lib/climbwatch --config trial.toml");
    assertThat(Called.example("      prints 41.2756", "java -jar climbwatch.jar"))
        .containsExactly("      prints 41.2756");
  }
}
