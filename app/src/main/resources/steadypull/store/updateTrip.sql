update trip
set reached_micros = :reachedMicros,
    last_sample_micros = :lastSampleMicros,
    sample_count = :sampleCount,
    distance_metres = :distanceMetres,
    channel_keys = :channelKeys,
    gaps = :gaps,
    sealed = :sealed
where trip_key = :tripKey
