insert into segment (trip_key, first_sample, sample_count, first_micros, last_micros, samples)
values (:tripKey, :firstSample, :sampleCount, :firstMicros, :lastMicros, :samples)
