namespace LubeController.Board;

/// <summary>CRC-32 as in IEEE 802.3: reflected polynomial EDB88320, start and final inversion.</summary>
public static class Crc32
{
    /// <summary>The check value of some bytes.</summary>
    public static uint Of(byte[] bytes, int offset, int length)
    {
        uint crc = 0xFFFFFFFF;
        for (int index = offset; index < offset + length; index++)
        {
            crc ^= bytes[index];
            for (int bit = 0; bit < 8; bit++)
                crc = (crc & 1) != 0 ? (crc >> 1) ^ 0xEDB88320 : crc >> 1;
        }

        return ~crc;
    }
}
