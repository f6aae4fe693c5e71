pragma user_version = <version>
