select first_sample, sample_count, first_micros, last_micros
from segment
where trip_key = :tripKey
order by first_sample desc
