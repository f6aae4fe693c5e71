select samples from segment where trip_key = :tripKey and first_sample = :firstSample
