package org.climbwatch.app;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Optional;

/** Where a command's result goes: a file, or standard output. */
final class Output {
  private Output() {}

  static OutputStream open(Optional<Path> file) throws IOException {
    if (file.isEmpty()) {
      return new FilterOutputStream(System.out) {
        @Override
        public void write(byte[] bytes, int from, int count) throws IOException {
          out.write(bytes, from, count);
        }

        @Override
        public void close() throws IOException {
          flush();
        }
      };
    }
    try {
      return Files.newOutputStream(file.get());
    } catch (NoSuchFileException noFolder) {
      throw new Refusal("--out " + file.get() + ": there is no such folder; make it first");
    }
  }
}
