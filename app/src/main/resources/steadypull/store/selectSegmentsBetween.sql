select first_sample, samples as bytes from segment
where trip_key = :tripKey and first_sample between :from and :to
order by first_sample
