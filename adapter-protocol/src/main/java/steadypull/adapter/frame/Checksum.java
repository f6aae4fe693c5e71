package steadypull.adapter.frame;

/** The last byte of a message on the older buses. */
public enum Checksum {
  /** Sum of all bytes before it, modulo 256 (ISO 9141-2, ISO 14230). */
  SUM {
    @Override
    public int of(Octets bytes) {
      int sum = 0;
      for (int i = 0; i < bytes.size(); i++) {
        sum += bytes.at(i);
      }
      return sum & 0xFF;
    }
  },

  /** Cyclic redundancy check, polynomial 0x1D, first value 0xFF, result inverted (SAE J1850). */
  J1850_CRC {
    @Override
    public int of(Octets bytes) {
      int remainder = 0xFF;
      for (int i = 0; i < bytes.size(); i++) {
        remainder = divided(remainder ^ bytes.at(i));
      }
      return remainder ^ 0xFF;
    }
  };

  /** The check byte over all bytes given, 0 to 255. */
  public abstract int of(Octets bytes);

  private static int divided(int octet) {
    int remainder = octet;
    for (int bit = 0; bit < 8; bit++) {
      int shifted = remainder << 1;
      remainder = ((remainder & 0x80) == 0 ? shifted : shifted ^ 0x1D) & 0xFF;
    }
    return remainder;
  }
}
