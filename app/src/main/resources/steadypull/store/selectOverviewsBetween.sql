select first_sample, buckets as bytes from overview
where trip_key = :tripKey and first_sample between :from and :to
order by first_sample
