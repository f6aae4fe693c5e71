insert into trip_heat (origin, vehicle_name, start_epoch_micros, told)
values (:origin, :name, :startEpochMicros, :told)
on conflict (origin) do nothing
