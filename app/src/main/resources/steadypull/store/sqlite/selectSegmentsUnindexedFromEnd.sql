select first_sample, sample_count, first_micros, last_micros
from segment not indexed
where trip_key = :tripKey
order by segment_key desc
