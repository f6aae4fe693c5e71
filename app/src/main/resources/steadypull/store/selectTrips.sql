select trip_key, id, origin, vehicle_name, start_epoch_micros, start_offset_seconds, label, note, tags,
       fitted, outside, outside_celsius, source, adapter, protocol, vehicle_number_hash, software_version,
       reached_micros, last_sample_micros, sample_count, distance_metres, channel_keys, gaps, sealed
from trip
where removed = 0 and substr(id, 1, length(:prefix)) = :prefix
order by start_epoch_micros desc, trip_key desc
