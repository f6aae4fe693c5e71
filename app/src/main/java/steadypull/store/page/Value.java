package steadypull.store.page;

import java.util.Objects;

/** One value of a row. Immutable. */
public sealed interface Value {
  /** SQL's null. */
  record Nothing() implements Value {}

  /** An integer; a real number without a fraction may lie in the file as one. */
  record Whole(long number) implements Value {}

  /** A real number. */
  record Real(double number) implements Value {}

  /** A text that was valid UTF-8. */
  record Text(String text) implements Value {
    public Text {
      Objects.requireNonNull(text);
    }
  }

  /** Bytes; not copied, because a segment may be long. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record Bytes(byte[] bytes) implements Value {
    public Bytes {
      Objects.requireNonNull(bytes);
    }
  }

  /** The page on which it lay is damaged; the values before it can be read. */
  record Unreadable() implements Value {}
}
