insert into trip
  (id, origin, vehicle_name, vehicle_key, start_epoch_micros, start_offset_seconds, label, note,
   tags, fitted, outside, outside_celsius, source, software_version)
values
  (:id, :origin, :vehicleName, :vehicleKey, :startEpochMicros, :startOffsetSeconds, :label, :note,
   :tags, :fitted, :outside, :outsideCelsius, :source, :softwareVersion)
