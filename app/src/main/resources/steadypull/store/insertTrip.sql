insert into trip
  (id, vehicle_name, vehicle_file, start_epoch_micros, label, source, software_version)
values
  (:id, :vehicleName, :vehicleFile, :startEpochMicros, :label, :source, :softwareVersion)
