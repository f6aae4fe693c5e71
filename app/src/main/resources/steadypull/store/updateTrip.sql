update trip
set reached_micros = :reachedMicros,
    last_sample_micros = :lastSampleMicros,
    sample_count = :sampleCount,
    distance_metres = :distanceMetres,
    sealed = :sealed
where trip_key = :tripKey
