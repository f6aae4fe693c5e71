package steadypull.demo.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.link.LinkException;

/**
 * Serves a bench over TCP on the machine's own address, one client at a time, on the machine's time
 * times the bench's speed. Closing is safe from any thread.
 */
public final class BenchServer implements AutoCloseable {
  private final ServerSocket listening;
  private final BenchPump pump;
  private volatile @Nullable Socket present;

  private BenchServer(ServerSocket listening, BenchPump pump) {
    this.listening = listening;
    this.pump = pump;
  }

  /**
   * Begins to serve.
   *
   * @param address a bench, such as {@code demo:cool-day?speed=20}
   * @param port 1 to 65535, or 0 for any that is free
   * @throws LinkException if the address is malformed or the port is taken
   */
  public static BenchServer serve(String address, int port) throws LinkException {
    BenchSettings settings = BenchAddress.parse(address);
    try {
      ServerSocket listening = new ServerSocket(port, 1, InetAddress.getLoopbackAddress());
      BenchServer server = new BenchServer(listening, new BenchPump(settings));
      Thread.ofPlatform().daemon().name("bench-server").start(server::acceptAll);
      return server;
    } catch (IOException taken) {
      throw new LinkException(
          address,
          "serve on TCP port " + port,
          String.valueOf(taken.getMessage()),
          "Choose another port, or 0 for any that is free.",
          taken);
    }
  }

  /** The port that is served. */
  public int port() {
    return listening.getLocalPort();
  }

  @Override
  public void close() {
    try {
      listening.close();
      Socket client = present;
      if (client != null) {
        client.close();
      }
    } catch (IOException alreadyGone) {
      // Nothing is left to release: a socket that fails to close is closed all the same.
    }
  }

  private void acceptAll() {
    while (!listening.isClosed()) {
      try (Socket client = listening.accept()) {
        present = client;
        client.setTcpNoDelay(true);
        if (pump.isPresent()) {
          converse(client);
        }
      } catch (IOException gone) {
        // The client or the listening socket has gone; the loop looks whether to wait for another.
      }
    }
  }

  private void converse(Socket client) throws IOException {
    Thread talking = Thread.ofPlatform().daemon().name("bench-talk").start(() -> talk(client));
    try {
      InputStream in = client.getInputStream();
      byte[] bytes = new byte[512];
      for (int count = in.read(bytes); count >= 0; count = in.read(bytes)) {
        pump.hear(bytes, count);
      }
    } finally {
      talking.interrupt();
      client.close();
      awaitEnd(talking);
    }
  }

  /** Who still talked to a client that has gone would take what is meant for the next. */
  private static void awaitEnd(Thread talking) {
    boolean isInterrupted = false;
    while (talking.isAlive()) {
      try {
        talking.join();
      } catch (InterruptedException later) {
        isInterrupted = true;
      }
    }
    if (isInterrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void talk(Socket client) {
    try (client) {
      OutputStream out = client.getOutputStream();
      while (!listening.isClosed() && pump.isPresent()) {
        out.write(pump.awaitDue());
        out.flush();
      }
    } catch (IOException gone) {
      // The client has gone; the thread that hears it ends the conversation.
    } catch (InterruptedException ended) {
      Thread.currentThread().interrupt();
    }
  }
}
