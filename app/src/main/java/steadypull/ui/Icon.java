package steadypull.ui;

/** Line icons in a box of 34. */
enum Icon {
  FLAG("M8.5,31V4M8.5,5H27.5L21,11.5L27.5,18H8.5"),
  MOON("M23.4,21.2A11.7,11.7 0 1 1 13.8,4.2A9.6,9.6 0 0 0 23.4,21.2Z"),
  SUN(
      "M17,3V7.5M17,26.5V31M3,17H7.5M26.5,17H31M7.4,7.4L10,10M24,24L26.6,26.6M7.4,26.6L10,24"
          + "M24,10L26.6,7.4M11,17A6,6 0 1 0 23,17A6,6 0 1 0 11,17"),
  LINES("M4,8.5H30M4,17H23.5M4,25.5H16"),
  CHECK("M4,18L13,26.5L30,7.5"),
  BELL_CLOCK(
      "M17,9.6V18L22.3,21.2M4.2,17A12.8,12.8 0 1 0 29.8,17A12.8,12.8 0 1 0 4.2,17"
          + "M3.2,4.2L8.5,2.1M30.8,4.2L25.5,2.1"),
  AROUND("M28,17A11,11 0 1 1 24,8.5M24,3V9H18"),
  PLAY("M10,5.5L28,17L10,28.5Z"),
  OUT("M17,22.5V4M10,11L17,4L24,11M4.5,21V30H29.5V21"),
  BIN("M4.5,9H29.5M12.5,9V4.5H21.5V9M7.5,9L9.5,30H24.5L26.5,9M14,14.5V24.5M20,14.5V24.5"),
  BACK("M13,8L4.5,17L13,26M4.5,17H30"),
  NONE("");

  private final String path;

  Icon(String path) {
    this.path = path;
  }

  /** Outline. */
  String path() {
    return path;
  }
}
