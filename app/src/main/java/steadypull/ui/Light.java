package steadypull.ui;

/** The two sets of colours. */
enum Light {
  DAY("day"),
  NIGHT("night");

  private final String styleClass;

  Light(String styleClass) {
    this.styleClass = styleClass;
  }

  /** The style class that carries this set of tokens. */
  String styleClass() {
    return styleClass;
  }
}
