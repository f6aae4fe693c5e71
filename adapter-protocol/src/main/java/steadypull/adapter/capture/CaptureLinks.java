package steadypull.adapter.capture;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkProvider;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.MalformedAddressException;

/**
 * Finds {@code capture:FILE[?speed=20]}: what an adapter once said, as a link. The speed is that of
 * the recording unless told; {@code max} never waits. Every address found is a replay of its own
 * from the beginning. Immutable.
 */
public final class CaptureLinks implements LinkProvider {
  private static final String SCHEME = "capture:";
  private static final Pattern FORM =
      Pattern.compile("capture:(.+?)(?:\\?speed=(max|[0-9]{1,4}(?:\\.[0-9]{1,3})?))?");

  @Override
  public Optional<LinkSource> find(String address) throws LinkException {
    if (!address.startsWith(SCHEME)) {
      return Optional.empty();
    }
    Matcher form = form(address);
    RecordedDialogue dialogue = read(address, form);
    OptionalDouble speed = speed(address, Optional.ofNullable(form.group(2)).orElse("1"));
    return Optional.of(new CaptureReplay(address, dialogue, new ReplayClock(speed)));
  }

  /**
   * How long the capture behind an address lasts, on its link's clock.
   *
   * @return empty if the address is of another kind
   * @throws LinkException if the address is malformed or the file is no capture
   */
  public static Optional<Duration> lasts(String address) throws LinkException {
    return address.startsWith(SCHEME)
        ? Optional.of(read(address, form(address)).lasts())
        : Optional.empty();
  }

  /**
   * A note of the capture behind an address; empty if the address is of another kind or the capture
   * has no such note.
   *
   * @throws LinkException if the address is malformed or there is no such file
   */
  public static Optional<String> note(String address, String word) throws LinkException {
    return address.startsWith(SCHEME)
        ? CaptureFile.note(address, Path.of(form(address).group(1)), word)
        : Optional.empty();
  }

  private static Matcher form(String address) throws LinkException {
    Matcher form = FORM.matcher(address);
    if (!form.matches()) {
      throw malformed(address, "no file");
    }
    return form;
  }

  private static RecordedDialogue read(String address, Matcher form) throws LinkException {
    return CaptureFile.read(address, Path.of(form.group(1)));
  }

  private static OptionalDouble speed(String address, String text) throws LinkException {
    if (text.equals("max")) {
      return OptionalDouble.empty();
    }
    double speed = Double.parseDouble(text);
    if (speed < 0.01) {
      throw malformed(address, "a speed of " + text + ", at which it never ends");
    }
    return OptionalDouble.of(speed);
  }

  private static LinkException malformed(String address, String found) {
    return new MalformedAddressException(
        address,
        "capture:FILE",
        found,
        "Write capture:FILE, then if wanted ?speed=20 or ?speed=max.",
        null);
  }
}
