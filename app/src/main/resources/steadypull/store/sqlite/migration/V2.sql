-- What has been seen of a vehicle's temperature sensors, as JSON; empty: nothing yet.
alter table vehicle add column sensor_evidence text not null default '';
