package steadypull.store.column;

/** Reads what {@link SeriesWriter} wrote. */
final class SeriesReader implements AutoCloseable {
  private static final ByteReader NOTHING = new ByteReader(new byte[0], 0, 0);

  private final Inflation inflation = new Inflation();
  private ByteReader body = NOTHING;
  private ByteReader pool = NOTHING;

  /** Reads from octets that begin with the pool. */
  void begin(ByteReader octets) throws DamagedSegmentException {
    this.body = octets;
    this.pool = inflation.read(body);
  }

  /** Where single numbers come from, between the series. */
  ByteReader body() {
    return body;
  }

  long[] series(int count) throws DamagedSegmentException {
    long[] series = new long[count];
    fill(series);
    return series;
  }

  /** Fills an array with a series of its length. */
  void fill(long[] series) throws DamagedSegmentException {
    int method = body.octet();
    long base = body.signed();
    if (method == SeriesWriter.SLOPE) {
      long slope = body.signed();
      for (int i = 0; i < series.length; i++) {
        series[i] = base + i * slope;
      }
    } else {
      packed(series, method, base);
    }
  }

  private void packed(long[] series, int order, long base) throws DamagedSegmentException {
    long step = body.unsigned();
    Packing packing = Packing.read(order, body.octet());
    if (series.length < SeriesWriter.POOLED) {
      Symbols.read(pool, series);
    } else {
      ByteReader symbols = block();
      Symbols.read(symbols, series);
      symbols.requireEnd();
    }
    LowBits.readUnder(body, series, packing.lowBits());
    packing.unpack(series, base, step);
  }

  ByteReader block() throws DamagedSegmentException {
    return inflation.read(body);
  }

  void requireEnd() throws DamagedSegmentException {
    pool.requireEnd();
    body.requireEnd();
  }

  @Override
  public void close() {
    inflation.close();
  }
}
