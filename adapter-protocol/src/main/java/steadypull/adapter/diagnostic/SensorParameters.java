package steadypull.adapter.diagnostic;

/**
 * Rows of the service 01 table with several values, up to 72. Fuel trims have one byte or two,
 * depending on the banks that parameters 13 and 1D declare: the length is learnt from each control
 * unit; an answer of one byte is the first bank's.
 *
 * <p>Columns: parameter in hex | data bytes | number of the value, - if it is the only one | name |
 * unit | presence bit of the first data byte, - if always there, with ! and the bit that says "no
 * data now" | first bit + bit length, most significant first | u unsigned, s two's complement |
 * scale | offset | least | greatest plausible value | sources of the layout, letters of {@link
 * LayoutSource}. One-byte temperatures leave out 00 and FF (-40 and 215 degC), which stand for "no
 * sensor" in many control units.
 *
 * <p>Layouts: SAE J1979 appendix B as the sources give it. Plausible ranges: common practice, no
 * source.
 */
final class SensorParameters {
  private SensorParameters() {}

  static final String ROWS =
      """
      06 | 2 | 1 | short-term fuel trim bank 1                    | % | - | 0+8 | u | 100/128 | -100 | -100 | 99.3 | M
      06 | 2 | 2 | short-term fuel trim bank 3                    | % | - | 8+8 | u | 100/128 | -100 | -100 | 99.3 | M
      07 | 2 | 1 | long-term fuel trim bank 1                     | % | - | 0+8 | u | 100/128 | -100 | -100 | 99.3 | M
      07 | 2 | 2 | long-term fuel trim bank 3                     | % | - | 8+8 | u | 100/128 | -100 | -100 | 99.3 | M
      08 | 2 | 1 | short-term fuel trim bank 2                    | % | - | 0+8 | u | 100/128 | -100 | -100 | 99.3 | M
      08 | 2 | 2 | short-term fuel trim bank 4                    | % | - | 8+8 | u | 100/128 | -100 | -100 | 99.3 | M
      09 | 2 | 1 | long-term fuel trim bank 2                     | % | - | 0+8 | u | 100/128 | -100 | -100 | 99.3 | M
      09 | 2 | 2 | long-term fuel trim bank 4                     | % | - | 8+8 | u | 100/128 | -100 | -100 | 99.3 | M
      13 | 1 | 1 | oxygen sensor present bank 1 sensor 1          | 1 | - | 7+1 | u | 1 | 0 | 0 | 1 | M
      13 | 1 | 2 | oxygen sensor present bank 1 sensor 2          | 1 | - | 6+1 | u | 1 | 0 | 0 | 1 | M
      13 | 1 | 3 | oxygen sensor present bank 1 sensor 3          | 1 | - | 5+1 | u | 1 | 0 | 0 | 1 | M
      13 | 1 | 4 | oxygen sensor present bank 1 sensor 4          | 1 | - | 4+1 | u | 1 | 0 | 0 | 1 | M
      13 | 1 | 5 | oxygen sensor present bank 2 sensor 1          | 1 | - | 3+1 | u | 1 | 0 | 0 | 1 | M
      13 | 1 | 6 | oxygen sensor present bank 2 sensor 2          | 1 | - | 2+1 | u | 1 | 0 | 0 | 1 | M
      13 | 1 | 7 | oxygen sensor present bank 2 sensor 3          | 1 | - | 1+1 | u | 1 | 0 | 0 | 1 | M
      13 | 1 | 8 | oxygen sensor present bank 2 sensor 4          | 1 | - | 0+1 | u | 1 | 0 | 0 | 1 | M
      1D | 1 | 1 | oxygen sensor present bank 1 sensor 1          | 1 | - | 7+1 | u | 1 | 0 | 0 | 1 | M
      1D | 1 | 2 | oxygen sensor present bank 1 sensor 2          | 1 | - | 6+1 | u | 1 | 0 | 0 | 1 | M
      1D | 1 | 3 | oxygen sensor present bank 2 sensor 1          | 1 | - | 5+1 | u | 1 | 0 | 0 | 1 | M
      1D | 1 | 4 | oxygen sensor present bank 2 sensor 2          | 1 | - | 4+1 | u | 1 | 0 | 0 | 1 | M
      1D | 1 | 5 | oxygen sensor present bank 3 sensor 1          | 1 | - | 3+1 | u | 1 | 0 | 0 | 1 | M
      1D | 1 | 6 | oxygen sensor present bank 3 sensor 2          | 1 | - | 2+1 | u | 1 | 0 | 0 | 1 | M
      1D | 1 | 7 | oxygen sensor present bank 4 sensor 1          | 1 | - | 1+1 | u | 1 | 0 | 0 | 1 | M
      1D | 1 | 8 | oxygen sensor present bank 4 sensor 2          | 1 | - | 0+1 | u | 1 | 0 | 0 | 1 | M
      4F | 4 | 1 | greatest equivalence ratio                     | 1 | - | 0+8 | u | 1 | 0 | 1 | 255 | KT
      4F | 4 | 2 | greatest oxygen sensor voltage                 | V | - | 8+8 | u | 1 | 0 | 1 | 255 | KT
      4F | 4 | 3 | greatest oxygen sensor current                 | mA | - | 16+8 | u | 1 | 0 | 1 | 255 | KT
      4F | 4 | 4 | greatest intake manifold absolute pressure     | kPa | - | 24+8 | u | 10 | 0 | 10 | 2550 | KT
      55 | 2 | 1 | short-term secondary fuel trim bank 1          | % | - | 0+8 | u | 100/128 | -100 | -100 | 99.3 | M
      55 | 2 | 2 | short-term secondary fuel trim bank 3          | % | - | 8+8 | u | 100/128 | -100 | -100 | 99.3 | M
      56 | 2 | 1 | long-term secondary fuel trim bank 1           | % | - | 0+8 | u | 100/128 | -100 | -100 | 99.3 | M
      56 | 2 | 2 | long-term secondary fuel trim bank 3           | % | - | 8+8 | u | 100/128 | -100 | -100 | 99.3 | M
      57 | 2 | 1 | short-term secondary fuel trim bank 2          | % | - | 0+8 | u | 100/128 | -100 | -100 | 99.3 | M
      57 | 2 | 2 | short-term secondary fuel trim bank 4          | % | - | 8+8 | u | 100/128 | -100 | -100 | 99.3 | M
      58 | 2 | 1 | long-term secondary fuel trim bank 2           | % | - | 0+8 | u | 100/128 | -100 | -100 | 99.3 | M
      58 | 2 | 2 | long-term secondary fuel trim bank 4           | % | - | 8+8 | u | 100/128 | -100 | -100 | 99.3 | M
      64 | 5 | 1 | engine torque at idle                          | % | - | 0+8 | u | 1 | -125 | -125 | 130 | DKT
      64 | 5 | 2 | engine torque at point 2                       | % | - | 8+8 | u | 1 | -125 | -125 | 130 | DKT
      64 | 5 | 3 | engine torque at point 3                       | % | - | 16+8 | u | 1 | -125 | -125 | 130 | DKT
      64 | 5 | 4 | engine torque at point 4                       | % | - | 24+8 | u | 1 | -125 | -125 | 130 | DKT
      64 | 5 | 5 | engine torque at point 5                       | % | - | 32+8 | u | 1 | -125 | -125 | 130 | DKT
      65 | 2 | 1 | power take-off active                          | 1 | 0 | 15+1 | u | 1 | 0 | 0 | 1 | DKT
      65 | 2 | 2 | automatic transmission in drive                | 1 | 1 | 14+1 | u | 1 | 0 | 0 | 1 | DKT
      65 | 2 | 3 | manual transmission in gear                    | 1 | 2 | 13+1 | u | 1 | 0 | 0 | 1 | DKT
      65 | 2 | 4 | glow lamp on                                   | 1 | 3 | 12+1 | u | 1 | 0 | 0 | 1 | DKT
      65 | 2 | 5 | recommended gear                               | 1 | 4 | 8+4 | u | 1 | 0 | 1 | 15 | DKT
      66 | 5 | 1 | mass air flow sensor A                         | g/s | 0 | 8+16 | u | 1/32 | 0 | 0 | 2047 | DKT
      66 | 5 | 2 | mass air flow sensor B                         | g/s | 1 | 24+16 | u | 1/32 | 0 | 0 | 2047 | DKT
      67 | 3 | 1 | engine coolant temperature 1                   | degC | 0 | 8+8 | u | 1 | -40 | -39 | 214 | DKT
      67 | 3 | 2 | engine coolant temperature 2                   | degC | 1 | 16+8 | u | 1 | -40 | -39 | 214 | DKT
      68 | 7 | 1 | intake air temperature bank 1 sensor 1         | degC | 0 | 8+8 | u | 1 | -40 | -39 | 214 | DKT
      68 | 7 | 2 | intake air temperature bank 1 sensor 2         | degC | 1 | 16+8 | u | 1 | -40 | -39 | 214 | DKT
      68 | 7 | 3 | intake air temperature bank 1 sensor 3         | degC | 2 | 24+8 | u | 1 | -40 | -39 | 214 | DKT
      68 | 7 | 4 | intake air temperature bank 2 sensor 1         | degC | 3 | 32+8 | u | 1 | -40 | -39 | 214 | DKT
      68 | 7 | 5 | intake air temperature bank 2 sensor 2         | degC | 4 | 40+8 | u | 1 | -40 | -39 | 214 | DKT
      68 | 7 | 6 | intake air temperature bank 2 sensor 3         | degC | 5 | 48+8 | u | 1 | -40 | -39 | 214 | DKT
      69 | 7 | 1 | commanded EGR A                                | % | 0 | 8+8 | u | 100/255 | 0 | 0 | 100 | DKT
      69 | 7 | 2 | actual EGR A                                   | % | 1 | 16+8 | u | 100/255 | 0 | 0 | 100 | DKT
      69 | 7 | 3 | EGR error A                                    | % | 2 | 24+8 | u | 100/128 | -100 | -100 | 99.3 | DKT
      69 | 7 | 4 | commanded EGR B                                | % | 3 | 32+8 | u | 100/255 | 0 | 0 | 100 | DKT
      69 | 7 | 5 | actual EGR B                                   | % | 4 | 40+8 | u | 100/255 | 0 | 0 | 100 | DKT
      69 | 7 | 6 | EGR error B                                    | % | 5 | 48+8 | u | 100/128 | -100 | -100 | 99.3 | DKT
      6A | 5 | 1 | commanded intake air flow A                    | % | 0 | 8+8 | u | 100/255 | 0 | 0 | 100 | KT
      6A | 5 | 2 | intake air flow position A                     | % | 1 | 16+8 | u | 100/255 | 0 | 0 | 100 | KT
      6A | 5 | 3 | commanded intake air flow B                    | % | 2 | 24+8 | u | 100/255 | 0 | 0 | 100 | KT
      6A | 5 | 4 | intake air flow position B                     | % | 3 | 32+8 | u | 100/255 | 0 | 0 | 100 | KT
      6B | 5 | 1 | EGR temperature sensor A                       | degC | 0 | 8+8 | u | 1 | -40 | -39 | 214 | DKT
      6B | 5 | 2 | EGR temperature sensor C                       | degC | 1 | 16+8 | u | 1 | -40 | -39 | 214 | DKT
      6B | 5 | 3 | EGR temperature sensor B                       | degC | 2 | 24+8 | u | 1 | -40 | -39 | 214 | DKT
      6B | 5 | 4 | EGR temperature sensor D                       | degC | 3 | 32+8 | u | 1 | -40 | -39 | 214 | DKT
      6B | 5 | 5 | EGR temperature sensor A wide range            | degC | 4 | 8+8 | u | 4 | -40 | -39 | 979 | DKT
      6B | 5 | 6 | EGR temperature sensor C wide range            | degC | 5 | 16+8 | u | 4 | -40 | -39 | 979 | DKT
      6B | 5 | 7 | EGR temperature sensor B wide range            | degC | 6 | 24+8 | u | 4 | -40 | -39 | 979 | DKT
      6B | 5 | 8 | EGR temperature sensor D wide range            | degC | 7 | 32+8 | u | 4 | -40 | -39 | 979 | DKT
      6C | 5 | 1 | commanded throttle A                           | % | 0 | 8+8 | u | 100/255 | 0 | 0 | 100 | DKT
      6C | 5 | 2 | throttle position A                            | % | 1 | 16+8 | u | 100/255 | 0 | 0 | 100 | DKT
      6C | 5 | 3 | commanded throttle B                           | % | 2 | 24+8 | u | 100/255 | 0 | 0 | 100 | DKT
      6C | 5 | 4 | throttle position B                            | % | 3 | 32+8 | u | 100/255 | 0 | 0 | 100 | DKT
      6D | 11 | 1 | commanded fuel rail pressure A                 | kPa | 0 | 8+16 | u | 10 | 0 | 0 | 655350 | DKT
      6D | 11 | 2 | fuel rail pressure A                           | kPa | 1 | 24+16 | u | 10 | 0 | 0 | 655350 | DKT
      6D | 11 | 3 | fuel rail temperature A                        | degC | 2 | 40+8 | u | 1 | -40 | -39 | 214 | DKT
      6D | 11 | 4 | commanded fuel rail pressure B                 | kPa | 3 | 48+16 | u | 10 | 0 | 0 | 655350 | DKT
      6D | 11 | 5 | fuel rail pressure B                           | kPa | 4 | 64+16 | u | 10 | 0 | 0 | 655350 | DKT
      6D | 11 | 6 | fuel rail temperature B                        | degC | 5 | 80+8 | u | 1 | -40 | -39 | 214 | DKT
      6F | 3 | 1 | compressor inlet pressure A                    | kPa | 0 | 8+8 | u | 1 | 0 | 0 | 255 | KT
      6F | 3 | 2 | compressor inlet pressure B                    | kPa | 1 | 16+8 | u | 1 | 0 | 0 | 255 | KT
      6F | 3 | 3 | compressor inlet pressure A wide range         | kPa | 2 | 8+8 | u | 8 | 0 | 0 | 2040 | KT
      6F | 3 | 4 | compressor inlet pressure B wide range         | kPa | 3 | 16+8 | u | 8 | 0 | 0 | 2040 | KT
      70 | 10 | 1 | commanded boost pressure A                     | kPa | 0 | 8+16 | u | 1/32 | 0 | 0 | 2047 | DKT
      70 | 10 | 2 | boost pressure A                               | kPa | 1 | 24+16 | u | 1/32 | 0 | 0 | 2047 | DKT
      70 | 10 | 3 | boost control status A                         | 1 | 2 | 78+2 | u | 1 | 0 | 0 | 3 | DKT
      70 | 10 | 4 | commanded boost pressure B                     | kPa | 3 | 40+16 | u | 1/32 | 0 | 0 | 2047 | DKT
      70 | 10 | 5 | boost pressure B                               | kPa | 4 | 56+16 | u | 1/32 | 0 | 0 | 2047 | DKT
      70 | 10 | 6 | boost control status B                         | 1 | 5 | 76+2 | u | 1 | 0 | 0 | 3 | DKT
      71 | 6 | 1 | commanded turbine geometry A                   | % | 0 | 8+8 | u | 100/255 | 0 | 0 | 100 | KT
      71 | 6 | 2 | turbine geometry A                             | % | 1 | 16+8 | u | 100/255 | 0 | 0 | 100 | KT
      71 | 6 | 3 | turbine geometry status A                      | 1 | 2 | 46+2 | u | 1 | 0 | 0 | 3 | KT
      71 | 6 | 4 | commanded turbine geometry B                   | % | 3 | 24+8 | u | 100/255 | 0 | 0 | 100 | KT
      71 | 6 | 5 | turbine geometry B                             | % | 4 | 32+8 | u | 100/255 | 0 | 0 | 100 | KT
      71 | 6 | 6 | turbine geometry status B                      | 1 | 5 | 44+2 | u | 1 | 0 | 0 | 3 | KT
      72 | 5 | 1 | commanded wastegate A                          | % | 0 | 8+8 | u | 100/255 | 0 | 0 | 100 | DKT
      72 | 5 | 2 | wastegate A                                    | % | 1 | 16+8 | u | 100/255 | 0 | 0 | 100 | DKT
      72 | 5 | 3 | commanded wastegate B                          | % | 2 | 24+8 | u | 100/255 | 0 | 0 | 100 | DKT
      72 | 5 | 4 | wastegate B                                    | % | 3 | 32+8 | u | 100/255 | 0 | 0 | 100 | DKT
      """;
}
