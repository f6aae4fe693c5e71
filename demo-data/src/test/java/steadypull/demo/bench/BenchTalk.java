package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkSource;

/** Talks to a bench in memory the way a terminal does. */
final class BenchTalk {
  private final LinkSource source;
  private final Link link;

  BenchTalk(String address) throws Exception {
    source = new BenchLinks().find(address).orElseThrow();
    link = source.open();
  }

  /** An adapter in the mode in which most tests want it: no echo, no blanks, headers. */
  static BenchTalk ready(String address) throws Exception {
    BenchTalk talk = new BenchTalk(address);
    for (String command : new String[] {"ATE0", "ATS0", "ATH1", "ATSP6"}) {
      talk.ask(command);
    }
    return talk;
  }

  /** Sends characters as they are. */
  void say(String characters) throws Exception {
    link.write(characters.getBytes(StandardCharsets.US_ASCII));
  }

  /** Sends a command and reads up to the prompt. */
  String ask(String command) throws Exception {
    say(command + "\r");
    StringBuilder reply = new StringBuilder();
    while (reply.indexOf(">") < 0) {
      String more = hear(20);
      assertThat(more).as("an answer to %s after %s", command, reply).isNotEmpty();
      reply.append(more);
    }
    return reply.toString();
  }

  /** Whatever comes first within some seconds; empty if nothing does. */
  String hear(double seconds) throws Exception {
    return new String(
        link.read(Duration.ofNanos((long) (seconds * 1e9))), StandardCharsets.ISO_8859_1);
  }

  /** Everything that comes within some seconds. */
  String hearAll(double seconds) throws Exception {
    long until = nanoTime() + (long) (seconds * 1e9);
    StringBuilder all = new StringBuilder();
    while (nanoTime() < until) {
      all.append(hear((until - nanoTime()) / 1e9));
    }
    return all.toString();
  }

  void pause(Duration span) throws Exception {
    source.clock().pause(span);
  }

  long nanoTime() {
    return source.clock().nanoTime();
  }

  /** How many seconds of the bench's time an action takes. */
  double seconds(Action action) throws Exception {
    long began = nanoTime();
    action.run();
    return (nanoTime() - began) / 1e9;
  }

  /** Something that may fail. */
  @FunctionalInterface
  interface Action {
    void run() throws Exception;
  }
}
