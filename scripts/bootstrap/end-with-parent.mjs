// Loaded into the server's process: when the process that started it is killed, the server must not keep the port.
process.on('disconnect', () => process.exit(0));
process.channel?.unref();
