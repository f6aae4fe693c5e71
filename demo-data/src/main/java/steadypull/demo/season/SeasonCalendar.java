package steadypull.demo.season;

import java.util.List;

/**
 * The season's trips, oldest first. Columns: day and time by the town's clock | vehicle | trailer
 * or solo | fitting | hours parked before | outing | cruise in km/h | outside air in degC |
 * headwind when leaving the town in m/s | sky | label | tags | note | incidents.
 */
final class SeasonCalendar {
  private SeasonCalendar() {}

  static List<CalendarRow> rows() {
    return ROWS.lines().map(CalendarRow::parse).toList();
  }

  private static final String ROWS =
      """
      03-09 08:10 | F | trailer | AS_BUILT | 13 | grade> idle3 grade< | 84 | 9 | 2 | overcast | | climb, sevenstone | first drive of the season |
      03-10 13:30 | V | solo | AS_BUILT | 1.5 | hold | 0 | 19 | 0 | indoors | baseline | dynamometer, charge circuit | van as it came in |
      03-11 09:05 | C | trailer | AS_BUILT | 12 | grade> grade< | 82 | 10 | 1 | drizzle | | climb, sevenstone | |
      03-12 10:00 | V | solo | AS_BUILT | 1.2 | hold | 0 | 18 | 0 | indoors | baseline | dynamometer, charge circuit | repeat |
      03-16 15:20 | R | trailer | AS_BUILT | 4 | grade> idle5 grade< | 78 | 12 | -2 | clear, tailwind | | climb, sevenstone | |
      03-17 14:45 | V | solo | AS_BUILT | 1.4 | hold | 0 | 21 | 0 | indoors | baseline | dynamometer, charge circuit | repeat, warmer room |
      03-18 07:40 | T | trailer | AS_BUILT | 14 | hill> hill< hill> hill< hill> hill< | 70 | 8 | 0 | fog | | climb, marl, repeats | three times Marl Hill without a pause |
      03-24 11:15 | V | trailer | AS_BUILT | 3 | ladder> idle6 ladder< | 84 | 14 | 1 | clear | baseline | climb, ladder | |
      03-26 10:30 | C | trailer | AS_BUILT | 2.5 | ladder> idle4 ladder< | 84 | 15 | 0 | clear | baseline | climb, ladder | |
      03-27 16:10 | F | trailer | AS_BUILT | 2 | grade> idle3 grade< | 84 | 16 | 1 | clear | | climb, sevenstone | |
      04-01 09:30 | T | solo | AS_BUILT | 1.5 | hold | 0 | 18 | 0 | indoors | baseline | dynamometer, additive | |
      04-03 09:10 | T | solo | AS_BUILT | 1.1 | hold | 0 | 19 | 0 | indoors | baseline | dynamometer, additive | |
      04-08 13:50 | T | solo | AS_BUILT | 1.6 | hold | 0 | 21 | 0 | indoors | baseline | dynamometer, additive | |
      04-09 10:20 | C | solo | AS_BUILT | 1.2 | hold | 0 | 20 | 0 | indoors | baseline | dynamometer, charge circuit | |
      04-10 07:55 | F | trailer | AS_BUILT | 13 | grade> idle3 grade< | 84 | 13 | 2 | overcast | | climb, sevenstone | |
      04-14 14:05 | V | trailer | AS_BUILT | 2 | ladder> idle6 ladder< | 84 | 19 | 2 | clear, light wind | baseline | climb, ladder | |
      04-16 15:00 | C | solo | AS_BUILT | 1.5 | hold | 0 | 19 | 0 | indoors | baseline | dynamometer, charge circuit | |
      04-18 09:40 | M | solo | AS_BUILT | 20 | flats> idle5 flats< | 86 | 17 | 3 | windy | | long drive | owner asks about consumption |
      04-22 10:10 | C | solo | AS_BUILT | 1.3 | hold | 0 | 21 | 0 | indoors | baseline | dynamometer, charge circuit | |
      04-24 12:30 | F | trailer | AS_BUILT | 3 | grade> idle3 grade< | 84 | 20 | 1 | clear | | climb, sevenstone | harvest dust on the road |
      04-28 11:00 | V | solo | AS_BUILT | 1.4 | pulls | 0 | 20 | 0 | indoors | baseline | dynamometer, pulls | |
      05-02 08:50 | M | solo | AS_BUILT | 15 | shelf> idle3 shelf< | 76 | 18 | 1 | clear | | climb, shelf | |
      05-06 09:20 | T | solo | ADDITIVE | 1.4 | hold | 0 | 20 | 0 | indoors | after | dynamometer, additive | wetting agent filled in yesterday |
      05-07 14:40 | C | trailer | AS_BUILT | 2 | ladder> idle4 ladder< | 84 | 24 | 0 | hazy | baseline | climb, ladder | |
      05-08 13:15 | F | trailer | AS_BUILT | 3 | grade> idle3 grade< | 84 | 23 | 1 | clear | | climb, sevenstone | |
      05-11 10:05 | T | solo | ADDITIVE | 1.2 | hold | 0 | 19 | 0 | indoors | after | dynamometer, additive | |
      05-13 13:40 | V | solo | MORE_COOLANT | 1.5 | hold | 0 | 20 | 0 | indoors | after | dynamometer, charge circuit | tank fitted on Monday |
      05-14 09:45 | T | solo | ADDITIVE | 1.5 | hold | 0 | 21 | 0 | indoors | after | dynamometer, additive | |
      05-15 10:30 | V | solo | MORE_COOLANT | 1.2 | hold | 0 | 19 | 0 | indoors | after | dynamometer, charge circuit | |
      05-18 15:30 | R | trailer | AS_BUILT | 3 | ladder> idle5 ladder< | 78 | 25 | 1 | clear | | climb, ladder | plug was loose | gap@905-968, mark@990=plug pushed back in
      05-19 14:20 | V | solo | MORE_COOLANT | 1.4 | hold | 0 | 22 | 0 | indoors | after | dynamometer, charge circuit | |
      05-21 15:10 | C | trailer | AS_BUILT | 2 | ladder> idle4 ladder< | 84 | 34 | -1 | hot, clear | baseline | climb, ladder, hot | lost power before the top |
      05-22 12:55 | F | trailer | AS_BUILT | 3 | grade> idle3 grade< | 84 | 25 | 1 | clear | | climb, sevenstone | |
      05-26 11:30 | V | trailer | MORE_COOLANT | 3 | ladder> idle6 ladder< | 84 | 24 | 1 | clear | after | climb, ladder | |
      06-03 09:50 | C | solo | SECOND_EXCHANGER | 1.2 | hold | 0 | 20 | 0 | indoors | after | dynamometer, charge circuit | second radiator fitted yesterday |
      06-05 08:20 | F | trailer | AS_BUILT | 12 | grade> idle3 grade< | 84 | 22 | 2 | overcast | | climb, sevenstone | |
      06-05 14:10 | C | solo | SECOND_EXCHANGER | 1.5 | hold | 0 | 22 | 0 | indoors | after | dynamometer, charge circuit | |
      06-09 13:20 | V | trailer | MORE_COOLANT | 2 | ladder> idle6 ladder< | 84 | 29 | 2 | hot | after | climb, ladder, hot | |
      06-10 07:35 | T | trailer | ADDITIVE | 14 | hill> hill< hill> hill< hill> hill< | 70 | 21 | 0 | clear | after | climb, marl, repeats | |
      06-11 10:15 | C | solo | SECOND_EXCHANGER | 1.3 | hold | 0 | 21 | 0 | indoors | after | dynamometer, charge circuit | |
      06-13 09:15 | M | solo | AS_BUILT | 16 | flats> | 86 | 24 | -1 | clear | | long drive | fuel at the far end |
      06-13 10:20 | M | solo | AS_BUILT | 0.3 | flats< | 86 | 27 | -1 | clear | | long drive | way back after the fuel stop |
      06-15 16:00 | R | trailer | AS_BUILT | 5 | hill> idle2 hill< | 66 | 27 | 0 | clear | | climb, marl | |
      06-18 14:30 | C | trailer | SECOND_EXCHANGER | 2 | ladder> idle4 ladder< | 84 | 25 | 0 | clear | after | climb, ladder | |
      06-19 13:05 | F | trailer | AS_BUILT | 3 | grade> idle3 grade< | 84 | 28 | 1 | dusty | | climb, sevenstone, hot | smells hot at the top | pending@610=P026A
      06-24 16:40 | V | solo | BOTH | 2 | hill> hill< | 72 | 26 | 0 | clear | | climb, marl | short drive to look for leaks |
      06-25 10:45 | V | solo | BOTH | 1.5 | hold | 0 | 21 | 0 | indoors | after | dynamometer, charge circuit | second radiator added |
      06-26 09:30 | V | solo | BOTH | 1.2 | hold | 0 | 20 | 0 | indoors | after | dynamometer, charge circuit | |
      06-26 15:45 | F | trailer | AS_BUILT | 2 | grade> idle3 grade< | 84 | 31 | 0 | dusty | baseline | climb, sevenstone, hot | last drive before the wash | stored@0=P026A, mark@760=pulls badly
      06-30 13:30 | F | trailer | AS_BUILT | 3 | grade> idle3 grade< | 84 | 31 | 0 | clear | after | climb, sevenstone, hot | coolers washed out from behind, code cleared |
      07-01 14:00 | V | solo | BOTH | 1.4 | hold | 0 | 22 | 0 | indoors | after | dynamometer, charge circuit | |
      07-02 15:20 | C | trailer | SECOND_EXCHANGER | 2 | ladder> idle4 ladder< | 84 | 34 | -1 | hot, clear | after | climb, ladder, hot | as hot as in May, full power to the top |
      07-04 10:00 | M | solo | AS_BUILT | 18 | ladder> idle10 ladder< | 74 | 28 | 1 | clear | | climb, ladder | |
      07-08 14:50 | V | trailer | BOTH | 2 | ladder> idle6 ladder< | 84 | 30 | 1 | hot | after | climb, ladder, hot | |
      07-10 08:05 | F | trailer | AS_BUILT | 12 | grade> idle3 grade< | 84 | 25 | 2 | overcast | | climb, sevenstone | |
      07-15 11:25 | T | trailer | ADDITIVE | 4 | shelf> idle5 shelf< | 76 | 29 | 1 | hazy | | climb, shelf, hot | |
      07-16 12:40 | C | trailer | SECOND_EXCHANGER | 3 | shelf> idle4 shelf< ladder> idle4 ladder< grade> grade< | 82 | 30 | 0 | hot, clear | | climb, shelf, ladder, sevenstone, hot | three ranges in one go |
      07-20 15:35 | R | trailer | AS_BUILT | 3 | ladder> idle5 ladder< | 80 | 33 | -2 | hot, tailwind | | climb, ladder, hot | customer says it loses power |
      07-22 13:00 | V | trailer | BOTH | 2 | ladder> idle6 ladder< shelf> shelf< | 84 | 29 | 1 | clear | after | climb, ladder, shelf | |
      07-24 14:15 | F | solo | AS_BUILT | 3 | grade> idle3 grade< | 90 | 28 | 0 | clear | | sevenstone | without the trailer |
      08-05 10:35 | V | solo | BOTH | 1.4 | pulls | 0 | 23 | 0 | indoors | after | dynamometer, pulls | |
      08-06 08:30 | C | trailer | SECOND_EXCHANGER | 13 | flats> idle5 flats< | 82 | 24 | 2 | windy | | long drive | |
      08-07 13:25 | F | trailer | AS_BUILT | 3 | grade> idle3 grade< | 84 | 27 | 1 | clear | | climb, sevenstone | |
      08-11 15:05 | R | trailer | AS_BUILT | 4 | shelf> idle5 shelf< | 74 | 29 | 0 | clear | | climb, shelf, hot | |
      """;
}
