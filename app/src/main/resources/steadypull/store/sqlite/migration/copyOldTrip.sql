insert into trip
  (trip_key, id, origin, vehicle_name, vehicle_key, start_epoch_micros, label, note, tags, fitted,
   outside, source, software_version, reached_micros, last_sample_micros, sample_count,
   distance_metres, channel_keys, gaps, sealed)
select trip_key, id, id, vehicle_name, :vehicleKey, start_epoch_micros, label, '', '', '', '', source,
       software_version, reached_micros, last_sample_micros, sample_count, distance_metres,
       :channelKeys, :gaps, sealed
from old_trip
where trip_key = :tripKey
