package steadypull.demo.bench;

/** Turns single bits. */
final class Damage {
  private Damage() {}

  /** A copy in which one bit, 0 to 7, of the byte at an index, wrapped round, is another. */
  static byte[] turned(byte[] bytes, int at, int bit) {
    byte[] turned = bytes.clone();
    turned[at % turned.length] ^= (byte) (1 << bit);
    return turned;
  }
}
