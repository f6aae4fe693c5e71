select trip_key, id, vehicle_name, start_epoch_micros, label, reached_micros, last_sample_micros,
       sample_count, distance_metres, sealed
from trip
where substr(id, 1, length(:prefix)) = :prefix
order by start_epoch_micros desc, trip_key desc
