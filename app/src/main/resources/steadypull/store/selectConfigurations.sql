select fitted, since_epoch_micros, touched, learnt
from configuration
where vehicle_name = :name
order by since_epoch_micros
