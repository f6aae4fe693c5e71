select id, origin, vehicle_name, start_epoch_micros
from trip
where sealed = 1 and removed = 0 and origin not in (select origin from trip_heat)
order by start_epoch_micros, trip_key
