// Unfolds one HEIC picture, in a thread of its own that can be stopped at any moment. The picture
// comes from a stranger's phone: its size is asked before it is unfolded, and the decoder gets no
// more memory than it is given.
import { parentPort, workerData } from 'node:worker_threads';

const pageBytes = 65_536;
const { bytes, pixelsMost, memoryBytesMost } = workerData;

const grow = WebAssembly.Memory.prototype.grow;
WebAssembly.Memory.prototype.grow = function growWithinReason(pages) {
  if (this.buffer.byteLength + pages * pageBytes > memoryBytesMost) {
    throw new RangeError('A picture may not take that much memory.');
  }
  return grow.call(this, pages);
};

const { default: decode } = await import('heic-decode');
const [picture] = await decode.all({ buffer: bytes });
if (picture.width * picture.height > pixelsMost) throw new RangeError('Too many pixels.');
const { data, width, height } = await picture.decode();
parentPort.postMessage({ pixels: data, widthPx: width, heightPx: height }, [data.buffer]);
