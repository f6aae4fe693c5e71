insert into trip_heat (origin, vehicle_name, start_epoch_micros, told)
select origin, vehicle_name, start_epoch_micros, ''
from trip
where vehicle_name = :name and sealed = 1
on conflict (origin) do nothing
