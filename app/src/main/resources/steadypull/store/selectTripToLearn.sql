select id, origin
from trip
where sealed = 1 and removed = 0 and origin not in (select origin from road_learned)
order by start_epoch_micros, trip_key
