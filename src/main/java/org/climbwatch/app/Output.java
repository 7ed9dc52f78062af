package org.climbwatch.app;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
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
      // not System.out, which keeps it to itself when a disk is full or a reader has gone
      return new FileOutputStream(FileDescriptor.out);
    }
    if (Files.isDirectory(file.get())) {
      throw new Refusal("--out " + file.get() + " is a folder; name a file in it");
    }
    try {
      return Files.newOutputStream(file.get());
    } catch (NoSuchFileException noFolder) {
      throw new Refusal("--out " + file.get() + ": there is no such folder; make it first");
    }
  }
}
