select buckets from overview where trip_key = :tripKey and first_sample = :firstSample
