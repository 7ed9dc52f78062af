package org.climbwatch.web;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.StandardSocketOptions;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.UnresolvedAddressException;

/**
 * The address of the page, taken before anything else is done: a daemon that cannot have it leaves
 * no trace. Who connects before the server runs waits for it.
 */
public final class ListenSocket implements AutoCloseable {
  private final ServerSocketChannel channel;

  private ListenSocket(ServerSocketChannel channel) {
    this.channel = channel;
  }

  /**
   * Takes host and port of the settings.
   *
   * @throws IOException when they cannot be had; the message says what to do
   */
  public static ListenSocket open(WebSettings settings) throws IOException {
    ServerSocketChannel channel = ServerSocketChannel.open();
    try {
      channel.setOption(StandardSocketOptions.SO_REUSEADDR, true);
      channel.bind(new InetSocketAddress(settings.host(), settings.port()));
      return new ListenSocket(channel);
    } catch (IOException | UnresolvedAddressException refused) {
      channel.close();
      String why = refused.getMessage() == null ? "no such host" : refused.getMessage();
      throw new IOException(
          "cannot listen on "
              + settings.host()
              + ":"
              + settings.port()
              + " ("
              + why
              + "); stop what uses it, or choose another with --listen HOST:PORT",
          refused);
    }
  }

  ServerSocketChannel channel() {
    return channel;
  }

  /** Lets go of it; the server that was started on it does so by itself. */
  @Override
  public void close() throws IOException {
    channel.close();
  }
}
