package org.climbwatch.web;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.zip.GZIPOutputStream;

/**
 * The page's own files, out of the jar. Only those named here are served, so no path can lead
 * elsewhere. Each is packed once, when it is first asked for, and kept packed.
 */
final class PageFiles {
  private static final String UPLOT = "/META-INF/resources/webjars/uplot/1.6.30/dist/";
  private static final String HTML = "text/html;charset=utf-8";
  private static final String CSS = "text/css;charset=utf-8";
  private static final String SCRIPT = "text/javascript;charset=utf-8";

  /** Address, and where it lies in the jar. */
  static final Map<String, String> RESOURCES = resources();

  private record Packed(String etag, byte[] gzip) {}

  private final Map<String, Packed> packed = new ConcurrentHashMap<>();

  private static Map<String, String> resources() {
    Map<String, String> resources = new TreeMap<>();
    resources.put("/", "/web/index.html");
    resources.put("/uncertainty.html", "/web/uncertainty.html");
    for (String name :
        new String[] {
          "page.css",
          "icon.svg",
          "main.js",
          "api.js",
          "words.js",
          "contact.js",
          "alarms.js",
          "answer.js",
          "card.js",
          "number.js",
          "forecast.js",
          "curve.js",
          "firing.js",
          "history.js",
          "past.js",
          "probes.js",
          "sound.js",
          "theme.js",
          "trial.js",
          "trialresult.js",
          "trialrun.js",
          "rulewords.js",
          "uncertainty.js"
        }) {
      resources.put("/page/" + name, "/web/" + name);
    }
    resources.put("/page/uplot.js", UPLOT + "uPlot.iife.min.js");
    resources.put("/page/uplot.css", UPLOT + "uPlot.min.css");
    return resources;
  }

  /** Answers with a file; 304 when the browser has it already. */
  void serve(Context context, String address) throws IOException {
    Packed file = packed.get(address);
    if (file == null) {
      file = pack(RESOURCES.get(address));
      packed.put(address, file);
    }
    context.header("Cache-Control", "no-cache, must-revalidate");
    context.header("ETag", file.etag);
    context.header("Vary", "Accept-Encoding");
    context.contentType(type(RESOURCES.get(address)));
    String known = context.header("If-None-Match");
    if (known != null && known.contains(file.etag)) {
      context.status(304);
    } else if (takesGzip(context)) {
      context.header("Content-Encoding", "gzip");
      context.result(file.gzip);
    } else {
      context.result(read(RESOURCES.get(address)));
    }
  }

  private static boolean takesGzip(Context context) {
    String accepted = context.header("Accept-Encoding");
    return accepted != null && accepted.matches("(?i).*\\bgzip\\b(?!\\s*;\\s*q=0(\\.0*)?\\b).*");
  }

  private static Packed pack(String resource) throws IOException {
    byte[] plain = read(resource);
    ByteArrayOutputStream gzip = new ByteArrayOutputStream(plain.length / 2);
    try (GZIPOutputStream out = new GZIPOutputStream(gzip)) {
      out.write(plain);
    }
    // weak, since the packed and the plain form share it (RFC 9110, section 8.8.3)
    return new Packed(
        "W/\"" + HexFormat.of().formatHex(sha256(plain), 0, 8) + "\"", gzip.toByteArray());
  }

  private static byte[] read(String resource) throws IOException {
    try (InputStream in = PageFiles.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IOException("the program's jar lacks " + resource);
      }
      return in.readAllBytes();
    }
  }

  private static byte[] sha256(byte[] bytes) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(bytes);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  private static String type(String resource) {
    if (resource.endsWith(".js")) {
      return SCRIPT;
    }
    if (resource.endsWith(".css")) {
      return CSS;
    }
    return resource.endsWith(".svg") ? "image/svg+xml" : HTML;
  }
}
