package sparewell.ooxml;

import java.io.IOException;
import java.io.InputStream;
import java.util.zip.CRC32;

/** Unpacked bytes of an entry, bounded, and compared with its size and checksum at the end. */
final class CheckedEntryStream extends InputStream {
  private final InputStream in;
  private final CRC32 crc = new CRC32();
  private final long wantedCrc;
  private final long wantedSize;
  private final long most;
  private long read;

  CheckedEntryStream(InputStream in, long wantedCrc, long wantedSize, long most) {
    this.in = in;
    this.wantedCrc = wantedCrc;
    this.wantedSize = wantedSize;
    this.most = most;
  }

  @Override
  public int read() throws IOException {
    byte[] one = new byte[1];
    return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
  }

  @Override
  public int read(byte[] buffer, int offset, int length) throws IOException {
    int n = in.read(buffer, offset, length);
    if (n < 0) {
      if (crc.getValue() != wantedCrc || read != wantedSize) {
        throw new IOException("checksum differs");
      }
      return n;
    }
    crc.update(buffer, offset, n);
    read += n;
    if (read > most) {
      throw new ZipParts.TooLarge("a part inside unpacks to far more than its packed size allows");
    }
    return n;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
