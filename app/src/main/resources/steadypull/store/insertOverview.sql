insert into overview (trip_key, first_sample, buckets) values (:tripKey, :firstSample, :buckets)
