package org.climbwatch.packaged;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/** The packaged program as a user runs it: started, asked over HTTP, stopped or killed. */
public final class DaemonProcess implements AutoCloseable {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final ObjectMapper JSON = new ObjectMapper();

  private final Process process;
  private final Path log;
  private final HttpClient http = HttpClient.newHttpClient();
  private final String url;

  private DaemonProcess(Process process, Path log) throws IOException, InterruptedException {
    this.process = process;
    this.log = log;
    url = awaitReady();
  }

  /** Starts {@code run} on a free port. */
  public static DaemonProcess run(Path folder, Path config, Path data)
      throws IOException, InterruptedException {
    Path log = Files.createTempFile(folder, "run", ".log");
    Process process =
        new ProcessBuilder(
                command(
                    "run",
                    "--config",
                    config.toString(),
                    "--data",
                    data.toString(),
                    "--listen",
                    "127.0.0.1:0"))
            .directory(folder.toFile())
            .redirectErrorStream(true)
            .redirectOutput(log.toFile())
            .start();
    return new DaemonProcess(process, log);
  }

  /** Runs another command to its end; gives its standard output. */
  public static Finished command(Path folder, String... arguments)
      throws IOException, InterruptedException {
    Path out = Files.createTempFile(folder, "out", ".txt");
    Path err = Files.createTempFile(folder, "err", ".txt");
    Process process =
        new ProcessBuilder(command(arguments))
            .directory(folder.toFile())
            .redirectInput(new File("/dev/null"))
            .redirectOutput(out.toFile())
            .redirectError(err.toFile())
            .start();
    if (!process.waitFor(PATIENCE.toSeconds(), TimeUnit.SECONDS)) {
      process.destroyForcibly();
      throw new AssertionError("did not end: " + String.join(" ", arguments));
    }
    return new Finished(process.exitValue(), Files.readString(out), Files.readString(err));
  }

  /** How a command ended. */
  public record Finished(int exit, String out, String err) {}

  static List<String> command(String... arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.add("-XX:TieredStopAtLevel=1");
    command.add("-XX:+UseSerialGC");
    command.add("-jar");
    command.add(System.getProperty("climbwatch.jar", "target/climbwatch.jar"));
    command.addAll(List.of(arguments));
    return command;
  }

  public String url() {
    return url;
  }

  public JsonNode get(String path) throws IOException, InterruptedException {
    return JSON.readTree(text(path));
  }

  public JsonNode status() throws IOException, InterruptedException {
    return get("api/v1/status");
  }

  public String text(String path) throws IOException, InterruptedException {
    HttpResponse<String> answer =
        http.send(
            HttpRequest.newBuilder(URI.create(url + path)).build(),
            HttpResponse.BodyHandlers.ofString());
    if (answer.statusCode() >= 300) {
      throw new AssertionError(path + " answered " + answer.statusCode() + " " + answer.body());
    }
    return answer.body();
  }

  /** Posts JSON; gives the answer's status. */
  public int post(String path, String body) throws IOException, InterruptedException {
    return http.send(
            HttpRequest.newBuilder(URI.create(url + path))
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(body))
                .build(),
            HttpResponse.BodyHandlers.ofString())
        .statusCode();
  }

  /** Asks for the status until it fits. */
  public JsonNode await(String what, Predicate<JsonNode> fits)
      throws IOException, InterruptedException {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    JsonNode status = status();
    while (!fits.test(status)) {
      if (System.nanoTime() > deadline) {
        throw new AssertionError(
            "never saw " + what + "; last " + status + "\n" + Files.readString(log));
      }
      pause();
      status = status();
    }
    return status;
  }

  /** Sends a signal, such as STOP and CONT for a machine that sleeps. */
  public void signal(String name) throws IOException, InterruptedException {
    String pid = Long.toString(process.pid());
    if (new ProcessBuilder("kill", "-" + name, pid).start().waitFor() != 0) {
      throw new AssertionError("could not send " + name);
    }
  }

  /** As a power cut would: no chance to tidy up. */
  public void kill() throws InterruptedException {
    process.destroyForcibly().waitFor();
  }

  /** SIGTERM; gives the exit code. */
  public int stop() throws InterruptedException {
    process.destroy();
    if (!process.waitFor(10, TimeUnit.SECONDS)) {
      process.destroyForcibly().waitFor();
      throw new AssertionError("did not stop within 10 s of SIGTERM");
    }
    return process.exitValue();
  }

  public String log() throws IOException {
    return Files.readString(log);
  }

  @Override
  public void close() {
    process.destroyForcibly().onExit().join();
  }

  private String awaitReady() throws IOException, InterruptedException {
    long deadline = System.nanoTime() + PATIENCE.toNanos();
    while (System.nanoTime() < deadline) {
      for (String line : Files.readAllLines(log)) {
        if (line.startsWith("ready http://")) {
          return line.substring("ready ".length());
        }
      }
      if (!process.isAlive()) {
        throw new AssertionError("ended before it was ready:\n" + Files.readString(log));
      }
      pause();
    }
    process.destroyForcibly();
    throw new AssertionError("never ready:\n" + Files.readString(log));
  }

  private static void pause() throws InterruptedException {
    TimeUnit.MILLISECONDS.sleep(20);
  }
}
