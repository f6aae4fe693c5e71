package steadypull.road.memory;

/**
 * What is known of a road at one of its nodes, in one direction of travel. Immutable.
 *
 * @param id of the node in its graph
 * @param latitudeDegrees WGS 84
 * @param longitudeDegrees WGS 84
 * @param placeErrorMetres standard deviation across the road, above 0
 * @param grade rise over run in the direction of travel, a fraction
 * @param gradeError standard deviation of the grade, a fraction, above 0
 * @param passes how many went this way; 0 where only passes the other way tell of it
 */
record RoadNode(
    long id,
    double latitudeDegrees,
    double longitudeDegrees,
    double placeErrorMetres,
    double grade,
    double gradeError,
    int passes) {}
