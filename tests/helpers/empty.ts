// Stands in for 'server-only' in tests, where everything runs on the server.
export {};
