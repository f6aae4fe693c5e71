insert into configuration (vehicle_name, fitted, since_epoch_micros, touched, learnt)
values (:name, :fitted, :sinceEpochMicros, :touched, :learnt)
on conflict (vehicle_name, since_epoch_micros) do update
set fitted = excluded.fitted, touched = excluded.touched, learnt = excluded.learnt
